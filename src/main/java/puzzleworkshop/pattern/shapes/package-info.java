/** Personal pieces beside each other: whether two could be exchanged, and how two of one shape are told apart. */
@org.springframework.modulith.NamedInterface("shapes")
package puzzleworkshop.pattern.shapes;
