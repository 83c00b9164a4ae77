/**
 * Rectangles on sheets and on rolls: the fewest sheets, the shortest piece of roll, and a bound that says how far from
 * the best an answer can be. Pure functions: the same pieces always give the same answer.
 */
@org.springframework.modulith.NamedInterface("packing")
package puzzleworkshop.geometry.packing;
