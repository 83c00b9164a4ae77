/** The week as a calendar to subscribe to. */
@org.springframework.modulith.NamedInterface("feed")
package puzzleworkshop.planning.feed;
