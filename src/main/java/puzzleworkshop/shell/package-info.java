/**
 * The frame around every screen: the page's head, the layout with its menu, the home page.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Shell")
package puzzleworkshop.shell;
