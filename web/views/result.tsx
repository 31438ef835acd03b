export function ResultView() {
  return <main class="sheet" />;
}
