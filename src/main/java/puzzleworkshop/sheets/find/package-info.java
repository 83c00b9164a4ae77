/** Finding the sheet, the place on it or the board to buy for a blank somebody needs. */
@org.springframework.modulith.NamedInterface("find")
package puzzleworkshop.sheets.find;
