/** Screens for signing in, for the first steps and for the people of the workshop. */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.access.ui;
