/**
 * Where everything is kept: an embedded PostgreSQL with a folder of its own, or a server named by
 * {@code spring.datasource.url}; and the whole of it out to one file and back.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Database")
package puzzleworkshop.database;
