import { addBlankSheet } from "./blanksheet";
import { Book } from "./data";
import { addShopSheet, shopRange } from "./shopsheet";

/** The workbook that the page opens on. */
export function demoBook(): object {
  const book = new Book();
  addBlankSheet(book);
  addShopSheet(book);
  return book.data({ MyShop: shopRange });
}
