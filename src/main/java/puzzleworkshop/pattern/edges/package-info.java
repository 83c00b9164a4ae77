/** One line between two pieces: how it is drawn, with knob or free, and how alike two of them are. */
@org.springframework.modulith.NamedInterface("edges")
package puzzleworkshop.pattern.edges;
