/** Cuts: what was answered before, how they went, how long they took. */
@org.springframework.modulith.NamedInterface("jobs")
package puzzleworkshop.cutting.jobs;
