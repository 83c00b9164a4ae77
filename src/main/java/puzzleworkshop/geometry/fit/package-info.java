/** Where a rectangle fits in an outline, at which angle, and what is left. */
@org.springframework.modulith.NamedInterface("fit")
package puzzleworkshop.geometry.fit;
