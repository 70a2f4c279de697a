import { addBlankSheet } from "./blanksheet";
import { Book } from "./data";
import { addShopSheet, shopRange } from "./shopsheet";
import { addTodaySheet } from "./todaysheet";

/** The workbook that the page opens on. */
export function demoBook(): object {
  const book = new Book();
  addBlankSheet(book);
  addTodaySheet(book);
  addShopSheet(book);
  return book.data({ MyShop: shopRange });
}
