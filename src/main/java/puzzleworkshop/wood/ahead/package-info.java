/** Which boards to buy and where blanks lie, with weeks to come in mind: pure functions on whole-numbered rectangles. */
@org.springframework.modulith.NamedInterface("ahead")
package puzzleworkshop.wood.ahead;
