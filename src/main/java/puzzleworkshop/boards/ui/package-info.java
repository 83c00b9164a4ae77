/** Screens on which boards and orders meet: the page of a sheet, a sheet for a blank, sheets for a week. */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.boards.ui;
