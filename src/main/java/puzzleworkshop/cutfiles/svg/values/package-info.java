/** The values in an SVG file's attributes: numbers, units, transforms, path data, what CSS says, and the view box. */
package puzzleworkshop.cutfiles.svg.values;
