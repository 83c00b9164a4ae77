// The system's sheet for sharing: only on pages with encryption and where the system has one. The words lie in the button.
const root = document.documentElement;
if (navigator.share) root.dataset.canShare = '';
document.addEventListener('click', event => {
  const button = event.target.closest?.('[data-share]');
  if (!button || !navigator.share) return;
  navigator.share({ title: button.shareTitle ?? '', text: button.shareText ?? '' }).catch(problem => {
    // The person closed the sheet: nothing was sent, nothing is wrong.
    if (problem.name !== 'AbortError') console.warn(problem);
  });
});
