// Runs before anything is drawn, so that a night page is black from its first moment. Chosen in `app/look/look.svelte.ts`.
try {
  const kept = localStorage.getItem("look");
  if (kept !== null) document.documentElement.dataset.look = kept;
} catch {
  // Without storage it begins by day; that nothing is kept is said elsewhere.
}
