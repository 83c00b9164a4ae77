/**
 * Shapes in millimetres and what can be asked of them: cut lines, outlines, where a rectangle fits, what remains. Pure
 * functions that know no framework.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Geometry", allowedDependencies = "measure")
package puzzleworkshop.geometry;
