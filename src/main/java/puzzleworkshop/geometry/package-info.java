/**
 * Flat shapes in millimetres: outlines with bad areas, where a rectangle fits in them at which angle, what remains
 * after a cut, packing of rectangles. Pure functions; knows no sheet, no order, no framework but JTS.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Geometry")
package puzzleworkshop.geometry;
