/** This week: what is due, what fits, whom to warn; and the hours and ways of delivery in Set-up. */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.planning.ui;
