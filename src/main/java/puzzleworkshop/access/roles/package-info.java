/** Who may do what: a table of every service command, looked at before each one, and money taken out of answers. */
package puzzleworkshop.access.roles;
