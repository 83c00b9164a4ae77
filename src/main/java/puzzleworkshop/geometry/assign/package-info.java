/** Many blanks on many boards at once, with a bound. */
@org.springframework.modulith.NamedInterface("assign")
package puzzleworkshop.geometry.assign;
