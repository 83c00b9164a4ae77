/** Its screens. */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.placing.ui;
