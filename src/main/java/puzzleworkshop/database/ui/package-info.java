/** The part of Set-up that makes a backup. */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.database.ui;
