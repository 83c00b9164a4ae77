/** The pages 'Wood' and 'What we are asked for'. */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.wood.ui;
