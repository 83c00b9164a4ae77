/**
 * What every room needs while the program runs, once: answers kept in memory, events after a commit, news to open
 * screens, limits on how often something may be tried.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Runtime")
package puzzleworkshop.runtime;
