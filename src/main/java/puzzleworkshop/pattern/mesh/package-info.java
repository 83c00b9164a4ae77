/** How the net of cut lines is drawn: faces, meshes, clearances. */
@org.springframework.modulith.NamedInterface("mesh")
package puzzleworkshop.pattern.mesh;
