/** How the net of cut lines is drawn: faces, knobs, edges, clearances. */
@org.springframework.modulith.NamedInterface("mesh")
package puzzleworkshop.pattern.mesh;
