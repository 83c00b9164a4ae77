/** Screens of the printing room: waiting pictures, runs drawn to scale. */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.printing.ui;
