/**
 * The pile of boards and offcuts as searchable stock: what lies where, in which condition, which one gives a blank with
 * the least loss, who reserved it, and what remains and what it carries in cost after the cut.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Sheets")
package puzzleworkshop.sheets;
