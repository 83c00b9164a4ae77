// A field for amounts swallows every key but digits and a point: of '9,40' it would make 940, without a word. Whatever is
// typed into it stays, and what cannot be read is said beside it.
document.addEventListener('focusin', (event) => {
  const field = event.target instanceof Element && event.target.closest('vaadin-big-decimal-field');
  if (field) field.allowedCharPattern = '[^]';
});
