export function SetupView() {
  return <main class="sheet" />;
}
