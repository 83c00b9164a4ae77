/**
 * The customer's picture: taken in, looked over, kept untouched, cropped to the puzzle, judged for print, and made into
 * the picture that is shown, approved and printed.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Artwork")
package puzzleworkshop.artwork;
