import { Component, type ReactNode } from 'react';
import { useLocation } from 'react-router';
import { Failed } from './states.js';

/** Keeps a page that broke from taking the way to the others with it. */
export function Failures({ children }: { readonly children: ReactNode }): ReactNode {
  // A new address is a new chance.
  return <Boundary key={useLocation().pathname}>{children}</Boundary>;
}

class Boundary extends Component<{ readonly children: ReactNode }, { readonly error: Error | null }> {
  override state: { readonly error: Error | null } = { error: null };

  static getDerivedStateFromError(error: Error): { readonly error: Error } {
    return { error };
  }

  override render(): ReactNode {
    return this.state.error === null ? this.props.children : <Failed error={this.state.error} />;
  }
}
