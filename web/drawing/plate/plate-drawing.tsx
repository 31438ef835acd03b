export function PlateDrawing() {
  return null;
}
