/** How far work is, for eyes and ears. */
@org.springframework.modulith.NamedInterface("progress")
package puzzleworkshop.display.progress;
