/**
 * At the bench: which stage of which order is done next, who did what when, clocks, checklists with cautions, and what
 * happens when something goes wrong.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Bench")
package puzzleworkshop.bench;
