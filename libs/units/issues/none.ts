/** An issue that needs nothing besides its path, value and what is accepted. */
export type None = Readonly<Record<never, never>>;
