/** Where something really lies, from a few points measured on it: shift, turn and stretch by least squares, and how sure. */
@org.springframework.modulith.NamedInterface("align")
package puzzleworkshop.geometry.align;
