/** Screens of the rack, and the drawing of a sheet that other screens show too. */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.sheets.ui;
