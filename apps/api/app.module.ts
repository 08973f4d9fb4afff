import { Module, type DynamicModule } from '@nestjs/common';
import { APP_FILTER, APP_GUARD, APP_INTERCEPTOR, APP_PIPE } from '@nestjs/core';
import { KeyGuard } from './access/key.guard.js';
import { DemoController } from './demo/demo.controller.js';
import { DiskWatch } from './problems/disk-watch.js';
import { HealthController } from './health/health.controller.js';
import { InboxController } from './inbox/inbox.controller.js';
import {
  DesignsController,
  FatsController,
  MouldsController,
  RecipesController,
} from './library/catalogue.controllers.js';
import { ShippedFatsController } from './library/shipped-fats.controller.js';
import { ShippedLiquidsController } from './library/shipped-liquids.controller.js';
import { CureController } from './lots/cure.controller.js';
import { LotsController } from './lots/lots.controller.js';
import { PhotosController } from './photos/photos.controller.js';
import { SERVICES, type Services } from './services.js';
import { ContractPipe } from './problems/contract.pipe.js';
import { NoticeStored } from './problems/notice-stored.interceptor.js';
import { ProblemFilter } from './problems/problem.filter.js';
import { AmountsController } from './runs/amounts.controller.js';
import { ClocksController } from './runs/clocks.controller.js';
import { LatestStartController } from './runs/latest-start.controller.js';
import { LogController } from './runs/log.controller.js';
import { PlanInputController } from './runs/plan-input.controller.js';
import { PlansController } from './runs/plans.controller.js';
import { RemediesController } from './runs/remedies.controller.js';
import { RunsController } from './runs/runs.controller.js';
import { KeysController } from './session/keys.controller.js';
import { SessionController } from './session/session.controller.js';
import { TextsInterceptor } from './words/texts.interceptor.js';
import { StockController } from './stock/stock.controller.js';
import { WorkshopController } from './workshop/workshop.controller.js';

/** All routes over parts that were made before. */
@Module({})
export class AppModule {
  static over(services: Services): DynamicModule {
    const disk = new DiskWatch(services.builtIn?.dataFolder, services.clock);
    return {
      module: AppModule,
      controllers: [
        HealthController,
        SessionController,
        KeysController,
        DemoController,
        WorkshopController,
        MouldsController,
        FatsController,
        ShippedFatsController,
        ShippedLiquidsController,
        RecipesController,
        DesignsController,
        RunsController,
        PlansController,
        PlanInputController,
        LatestStartController,
        RemediesController,
        AmountsController,
        StockController,
        ClocksController,
        LogController,
        PhotosController,
        InboxController,
        LotsController,
        CureController,
      ],
      providers: [
        { provide: SERVICES, useValue: services },
        { provide: DiskWatch, useValue: disk },
        { provide: APP_GUARD, useClass: KeyGuard },
        { provide: APP_INTERCEPTOR, useClass: TextsInterceptor },
        { provide: APP_INTERCEPTOR, useClass: NoticeStored },
        { provide: APP_PIPE, useClass: ContractPipe },
        { provide: APP_FILTER, useValue: new ProblemFilter(services.log, disk) },
      ],
    };
  }
}
