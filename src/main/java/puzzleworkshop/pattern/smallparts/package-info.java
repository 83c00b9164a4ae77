/** Whether a piece fits the small-parts cylinder, and which warning the box needs. */
@org.springframework.modulith.NamedInterface("smallparts")
package puzzleworkshop.pattern.smallparts;
