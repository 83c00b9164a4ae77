/** Screens of what comes back: complaints, what is decided about them, what they have in common. */
package puzzleworkshop.delivery.ui.returns;
