package puzzleworkshop.wood.play;

/** A blank cut from a board: the board's number, and the corner next to the board's origin. */
public record CutAt(int blank, int board, int x, int y, int width, int height) {}
