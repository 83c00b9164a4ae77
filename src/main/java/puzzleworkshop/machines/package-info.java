/** What a machine can reach and do, and what an hour of it costs. */
@org.springframework.modulith.ApplicationModule
package puzzleworkshop.machines;
