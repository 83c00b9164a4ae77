/** Trials, what they teach, and which to try next. */
@org.springframework.modulith.NamedInterface("trials")
package puzzleworkshop.cutting.trials;
