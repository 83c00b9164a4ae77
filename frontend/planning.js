// The cards of the week are markup. What is pressed or dragged among them is told to their board as one event.
const boardOf = (part) => part.closest('.planning-columns');
const tell = (board, name, detail) => board.dispatchEvent(new CustomEvent(name, {detail}));

let dragged = null;
let over = null;

function mark(column) {
  if (over === column) return;
  over?.classList.remove('planning-over');
  over = column;
  over?.classList.add('planning-over');
}

const columnUnder = (event) =>
  dragged && event.target instanceof Element ? event.target.closest('.planning-column[data-day]') : null;

document.addEventListener('click', (event) => {
  const button = event.target instanceof Element && event.target.closest('.planning-card > button');
  if (button) tell(boardOf(button), 'planning-choose', {order: Number(button.parentElement.dataset.order)});
});

document.addEventListener('dragstart', (event) => {
  const card = event.target instanceof Element && event.target.closest('.planning-card[draggable="true"]');
  if (!card) return;
  dragged = card;
  // some browsers begin no drag that carries nothing
  event.dataTransfer.setData('text/plain', card.dataset.order);
  event.dataTransfer.effectAllowed = 'move';
});

document.addEventListener('dragover', (event) => {
  const column = columnUnder(event);
  mark(column);
  if (column) event.preventDefault();
});

document.addEventListener('drop', (event) => {
  const column = columnUnder(event);
  if (!column) return;
  event.preventDefault();
  tell(boardOf(column), 'planning-moved', {order: Number(dragged.dataset.order), day: column.dataset.day});
});

document.addEventListener('dragend', () => {
  dragged = null;
  mark(null);
});
