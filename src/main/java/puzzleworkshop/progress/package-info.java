/**
 * What was done to each order: which stage, when, by whom, how long it took, and what had to be made again. Facts only; how
 * work is done and told stands above, at the bench.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Progress")
package puzzleworkshop.progress;
