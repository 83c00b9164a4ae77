package puzzleworkshop.sheets.board;

/** What a board was made for; construction board has voids and hard glue lines and needs more laser than craft board. */
public enum Grade {
    CRAFT,
    GENERAL,
    CONSTRUCTION
}
