/**
 * What the workshop learns from what it did: what orders earned against what was reckoned, by month and by size, and
 * where the standard minutes no longer hold.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Insights")
package puzzleworkshop.insights;
