/** Screens that measure in a photo: the printed sheet and its printer, a board's outline, taking stock of several at once. */
@org.springframework.modulith.NamedInterface("ui.photo")
package puzzleworkshop.sheets.ui.photo;
