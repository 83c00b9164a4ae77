/** What the workshop is asked for, by size, board and week: learned from its orders, corrected by its owner. */
@org.springframework.modulith.NamedInterface("asked")
package puzzleworkshop.wood.asked;
