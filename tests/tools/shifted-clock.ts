/**
 * Loaded before a program (`node --import`), sets its clock on the wall: an hour forth at the first SIGUSR2, two hours
 * back at the second, right again at the third.
 */
const hourMs = 3600_000;
const shifts = [hourMs, -hourMs, 0];
const real = Date.now;
let shift = 0;
Date.now = () => real() + shift;
process.on('SIGUSR2', () => {
  shift = shifts.shift() ?? 0;
});
