/** A second way to make photos with known truth, apart from the first, so that no mistake of one renderer is measured against itself. */
package puzzleworkshop.camera.traced;
