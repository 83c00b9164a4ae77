/** Set-up: the workshop's name and money, its trade numbers, and what each stage takes. */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.workshop.ui;
