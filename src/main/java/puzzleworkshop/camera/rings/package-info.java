/** Rings of measured points and parts of a raster: geometry without photos. */
package puzzleworkshop.camera.rings;
