export default function DesignPage(): null {
  return null;
}
