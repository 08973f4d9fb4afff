import { useLanguage } from '../words/words.js';

/** How sums of money are written here. @returns takes an amount and its currency (ISO 4217); a bare number without one */
export function useMoney(): (amount: number, currency: string | undefined) => string {
  const language = useLanguage() === 'de' ? 'de-DE' : 'en-GB';
  return (amount, currency) => {
    const style = currency === undefined ? {} : ({ style: 'currency', currency } as const);
    const digits = { minimumFractionDigits: 2, maximumFractionDigits: 2 };
    return new Intl.NumberFormat(language, { ...style, ...digits }).format(amount);
  };
}
