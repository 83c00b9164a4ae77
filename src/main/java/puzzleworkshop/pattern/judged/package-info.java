/** What a finished pattern is judged by: how hard it is, whether it holds together and sticks, which piece is lost. */
@org.springframework.modulith.NamedInterface("judged")
package puzzleworkshop.pattern.judged;
