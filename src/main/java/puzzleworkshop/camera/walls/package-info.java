/** What a board's own walls hide, and what they show of its edge. */
package puzzleworkshop.camera.walls;
