/** What a board is, may be and costs, and what is set for the whole rack. */
@org.springframework.modulith.NamedInterface("board")
package puzzleworkshop.sheets.board;
