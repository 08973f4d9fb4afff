import { lazy, type ReactNode } from 'react';
import { Route, Routes } from 'react-router';
import { NothingHere } from './shell/states.js';
import Overview from './library/overview.js';

const RecipePage = lazy(() => import('./library/recipe/recipe-page.js'));
const MouldPage = lazy(() => import('./library/mould/mould-page.js'));
const FatPage = lazy(() => import('./library/fat/fat-page.js'));
const ShippedFatPage = lazy(() => import('./library/fat/shipped-fat-page.js'));
const DesignPage = lazy(() => import('./library/design/design-page.js'));
const StockPage = lazy(() => import('./stock/stock-page.js'));
const ShoppingPage = lazy(() => import('./stock/shopping-page.js'));
const MaterialPage = lazy(() => import('./stock/material-page.js'));
const KeepPage = lazy(() => import('./run/keep-page.js'));
const ToolsPage = lazy(() => import('./stock/tools-page.js'));

/** What pieces are made of: designs, recipes, moulds, fats. */
export default function MakingsPage(): ReactNode {
  return (
    <Routes>
      <Route index element={<Overview />} />
      <Route path="designs/:id" element={<DesignPage />} />
      <Route path="recipes/:id" element={<RecipePage />} />
      <Route path="moulds/:id" element={<MouldPage />} />
      <Route path="fats/shipped/:key" element={<ShippedFatPage />} />
      <Route path="fats/:id" element={<FatPage />} />
      <Route path="stock" element={<StockPage />} />
      <Route path="stock/to-buy" element={<ShoppingPage />} />
      <Route path="stock/keep/:run/:part" element={<KeepPage />} />
      <Route path="stock/:unit/:key" element={<MaterialPage />} />
      <Route path="tools" element={<ToolsPage />} />
      <Route path="*" element={<NothingHere />} />
    </Routes>
  );
}
