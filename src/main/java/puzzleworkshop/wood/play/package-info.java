/** Boards, blanks and periods, what a decision may know, and the books of a play: pure values. */
@org.springframework.modulith.NamedInterface("play")
package puzzleworkshop.wood.play;
