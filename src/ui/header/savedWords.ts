/** How long ago something was kept on this machine, in words that only change now and then. */
export function savedWords(savedAt: number, now: number): string {
  const seconds = Math.max(0, Math.round((now - savedAt) / 1000));
  if (seconds < 5) return 'saved on this machine';
  if (seconds < 60) return `saved on this machine, ${Math.floor(seconds / 5) * 5} s ago`;
  const minutes = Math.floor(seconds / 60);
  if (minutes < 60) return `saved on this machine, ${minutes} min ago`;
  return `saved on this machine at ${new Date(savedAt).toTimeString().slice(0, 5)}`;
}
