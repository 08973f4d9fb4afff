import type { ReactNode } from 'react';
import { useWords } from '../words/words.js';

export default function Page(): ReactNode {
  const { shell } = useWords();
  return <h1>{shell.runs}</h1>;
}
