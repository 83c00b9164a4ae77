/**
 * Who may enter: accounts, sign-in, the first steps of a new workshop. Sign-in attempts are slowed down as they fail,
 * nothing but sign-in, the first steps and a customer's own link is open to strangers.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Access")
package puzzleworkshop.access;
