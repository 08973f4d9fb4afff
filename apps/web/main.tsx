import '@fontsource-variable/figtree';
import '@fontsource-variable/literata';
import './look/tokens.css';
import './look/base.css';
import './look/pieces.css';
import './shell/shell.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.js';

createRoot(document.getElementById('page')!).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
