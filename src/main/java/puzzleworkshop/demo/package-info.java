/**
 * A workshop to try things in: the Larkmoor Puzzle Room, its people, pictures drawn by code, boards and orders. All of it
 * is made up.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Demo")
package puzzleworkshop.demo;
