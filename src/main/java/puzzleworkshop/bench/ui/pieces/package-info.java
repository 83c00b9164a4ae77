/** Whether all pieces are there, seen by the camera, and the way to one piece made again. */
package puzzleworkshop.bench.ui.pieces;
